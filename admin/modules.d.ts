// What the bundler brings in besides TypeScript: components and style sheets.
/// <reference types="svelte" />
/// <reference types="vite/client" />
