import { mount } from 'svelte';
import App from './App.svelte';
import './fonts.css';
import './app.css';
import { keepApp } from './lib/offline';
import { finishOnLeave } from './lib/removal.svelte';
import { follow } from './lib/router.svelte';
import { show } from './lib/theme.svelte';

show();
follow();
finishOnLeave();
keepApp();
mount(App, { target: document.getElementById('app')! });
