/** Colours of the editor's own four themes, as it hands them to a page; from memory, the editor test has the real ones. */
const MODERN = { 'font-family': 'sans-serif', 'font-size': '13px' };

const dark = {
  ...MODERN,
  'editor-background': '#1f1f1f',
  'editor-foreground': '#cccccc',
  descriptionForeground: '#9d9d9d',
  'charts-blue': '#3794ff',
  'charts-green': '#89d185',
  'charts-purple': '#b180d7',
  'charts-orange': '#d18616',
  'editorError-foreground': '#f14c4c',
  'editorGroup-border': '#2b2b2b',
  'panel-border': '#2b2b2b',
  focusBorder: '#0078d4',
  'button-background': '#0078d4',
  'button-foreground': '#ffffff',
  'button-hoverBackground': '#026ec1',
  'button-secondaryBackground': '#313131',
  'button-secondaryForeground': '#cccccc',
  'dropdown-background': '#313131',
  'dropdown-foreground': '#cccccc',
  'dropdown-border': '#3c3c3c',
};

const light = {
  ...MODERN,
  'editor-background': '#ffffff',
  'editor-foreground': '#3b3b3b',
  descriptionForeground: '#3b3b3b',
  'charts-blue': '#1a85ff',
  'charts-green': '#388a34',
  'charts-purple': '#652d90',
  'charts-orange': '#d18616',
  'editorError-foreground': '#e51400',
  'editorGroup-border': '#e5e5e5',
  'panel-border': '#e5e5e5',
  focusBorder: '#005fb8',
  'button-background': '#005fb8',
  'button-foreground': '#ffffff',
  'button-hoverBackground': '#0258a8',
  'button-secondaryBackground': '#e5e5e5',
  'button-secondaryForeground': '#3b3b3b',
  'dropdown-background': '#ffffff',
  'dropdown-foreground': '#3b3b3b',
  'dropdown-border': '#cecece',
};

const contrast = {
  ...dark,
  'editor-background': '#000000',
  'editor-foreground': '#ffffff',
  descriptionForeground: '#ffffff',
  'editorError-foreground': '#f48771',
  contrastBorder: '#6fc3df',
  contrastActiveBorder: '#f38518',
  focusBorder: '#f38518',
  'button-background': '#000000',
  'button-secondaryBackground': '#000000',
  'button-secondaryForeground': '#ffffff',
  'dropdown-background': '#000000',
  'dropdown-foreground': '#ffffff',
  'dropdown-border': '#6fc3df',
};

const contrastLight = {
  ...light,
  'editor-foreground': '#292929',
  descriptionForeground: '#292929',
  'editorError-foreground': '#b5200d',
  contrastBorder: '#0f4a85',
  contrastActiveBorder: '#006bbd',
  focusBorder: '#006bbd',
  'button-background': '#0f4a85',
  'button-secondaryBackground': '#ffffff',
  'button-secondaryForeground': '#292929',
  'dropdown-border': '#0f4a85',
};

/** What the editor calls the body, and its colours. */
export const themes = {
  dark: { kind: 'vscode-dark', colours: dark },
  light: { kind: 'vscode-light', colours: light },
  contrast: { kind: 'vscode-high-contrast', colours: contrast },
  contrastLight: { kind: 'vscode-high-contrast vscode-high-contrast-light', colours: contrastLight },
} as const;
export type Theme = keyof typeof themes;
