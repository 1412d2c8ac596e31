import './look/fonts.css';
import './look/tokens.css';
import './look/base.css';
import './look/parts.css';

import { mount } from 'svelte';

import { settings } from './place/settings.svelte';
import Studio from './Studio.svelte';

settings.begin();
const target = document.getElementById('studio');
if (!target) throw new Error('the page has no place for the studio');
mount(Studio, { target });
