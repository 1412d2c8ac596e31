/** The band by itself, without a server: `?band=moon` (0 to 7 as `&which=`), `large`, `squares` or `open`; see BandBench.svelte. */
import '../src/look/fonts.css';
import '../src/look/tokens.css';
import '../src/look/base.css';

import { mount } from 'svelte';

import BandBench from './BandBench.svelte';
import { measure } from './measure';

const target = document.getElementById('bench');
if (!target) throw new Error('the page has no place for the bench');
mount(BandBench, { target });

Object.assign(window, { measure });
