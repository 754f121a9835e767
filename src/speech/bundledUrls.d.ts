/** Modules that the bundler builds for another realm and gives as an address. */
declare module '*?worker&url' {
  const url: string;
  // biome-ignore lint/style/noDefaultExport: the bundler's own form
  export default url;
}
