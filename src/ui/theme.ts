export type Theme = 'light' | 'dark';
const KEY = 'measured-yard-theme';

function stored(): Theme | null {
  try {
    const value = localStorage.getItem(KEY);
    return value === 'light' || value === 'dark' ? value : null;
  } catch {
    return null; // storage closed to the page: follow the system
  }
}

const systemDark = () => matchMedia('(prefers-color-scheme: dark)');

/** The person's choice, or else what the system asks for. */
export function currentTheme(): Theme {
  return stored() ?? (systemDark().matches ? 'dark' : 'light');
}

/** Shows a theme; with `keep` it is remembered on this device. */
export function showTheme(theme: Theme, keep: boolean): void {
  document.documentElement.dataset.theme = theme;
  if (!keep) return;
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    // not remembered; the page still shows it
  }
}

/** Calls back when the system changes its wish and the person has made no choice. */
export function followSystemTheme(changed: (theme: Theme) => void): void {
  systemDark().addEventListener('change', () => {
    if (!stored()) changed(currentTheme());
  });
}
