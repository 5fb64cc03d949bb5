/** The language id of boat files, as the manifest contributes it. */
export const boatLanguage = 'boat';
