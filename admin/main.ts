// Puts the admin on the page.
import { mount } from 'svelte';
import App from './App.svelte';
import { readyForNoNetwork } from './later/ready.ts';
import './tokens.css';
import './print.css';

mount(App, { target: document.body });
readyForNoNetwork();
