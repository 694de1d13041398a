/** The version of the app, from package.json. */
declare const __VERSION__: string;
