import '../src/look/fonts.css';
import '../src/look/tokens.css';
import '../src/look/base.css';

import { mount } from 'svelte';

import Round from './Round.svelte';

const target = document.getElementById('place');
if (target) mount(Round, { target });
