/** Comlink ships this module's types beside another extension, where the compiler does not look. */
declare module 'comlink/dist/esm/node-adapter.mjs' {
  export { default } from 'comlink/dist/esm/node-adapter'
}
