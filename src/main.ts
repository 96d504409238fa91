import './ui/theme.css';
import './ui/shell.css';
import { createIdbStorage } from './session/idbStorage';
import type { PictureStorage } from './session/pictureStorage';
import { openSession } from './session/store';
import { AppController, type Sample } from './ui/app-controller';
import { followAddress } from './ui/step-address';
import { currentTheme, followSystemTheme, showTheme } from './ui/theme';
import { YardApp } from './ui/yard-app';
import { YardLibrary } from './ui/yard-library';

/** Joins the parts. The only file that knows them all. */

const sampleUrls = import.meta.glob<string>('../sample-geojson/*.geojson', {
  query: '?url&no-inline',
  import: 'default',
  eager: true,
});
const pictureUrls = import.meta.glob<string>('../sample-geojson/*.png', {
  query: '?url&no-inline',
  import: 'default',
  eager: true,
});

function sample(file: string, name: string, words: string): Sample {
  return {
    id: file,
    name,
    words,
    async load() {
      const url = sampleUrls[`../sample-geojson/${file}.geojson`];
      const response = url === undefined ? null : await fetch(url);
      if (!response?.ok) throw new Error(`the sample “${name}” could not be fetched`);
      return response.text();
    },
  };
}

const SAMPLES: readonly Sample[] = [
  sample('corner-lot', 'Corner lot', 'Front and back lawn, beds, drive and walks, a storm drain and a pond.'),
  sample('townhouse', 'Townhouse', 'A small front and back yard with straight edges.'),
  sample('long-acre', 'Long acre', 'About an acre with holes and a lawn in several parts.'),
];

/** `sample:name` is the bundled picture of that name. */
function resolveUrl(url: string): string {
  const name = url.match(/^sample:([\w-]+)$/)?.[1];
  return (name !== undefined && pictureUrls[`../sample-geojson/${name}.png`]) || url;
}

const storage = createIdbStorage();
let pictureStorage: Promise<PictureStorage> | null = null;
/** Fetched with the first picture; a failed fetch is tried again. */
function pictures(): Promise<PictureStorage> {
  pictureStorage ??= import('./session/pictureStorage').then(
    (module) => module.createPictureStorage(),
    (error: unknown) => {
      pictureStorage = null;
      throw error;
    },
  );
  return pictureStorage;
}

const app = new AppController({
  storage,
  openSession: (yard, isNew) => openSession(yard, storage, { now: () => Date.now(), isNew }),
  async createMap(element, events) {
    const { createLeafletMap } = await import('./map/leafletMap');
    return createLeafletMap(element, events, pictures);
  },
  pictures,
  samples: SAMPLES,
  resolveUrl,
  now: () => new Date(),
});

app.theme = currentTheme();
showTheme(app.theme, false);
followSystemTheme((theme) => {
  showTheme(theme, false);
  app.setTheme(theme);
});

followAddress(app);
const library = new YardLibrary(app);
const shell = new YardApp();
shell.app = app;
shell.library = library;
document.body.append(shell);
void library.start().then(cleanLater);

/** Pictures that no yard shows any more are cleared a while after the page was opened. */
function cleanLater(): void {
  if (localStorage.getItem('measured-yard-pictures') === null) return;
  const atStart = app.isOpen ? [app.yard] : [];
  setTimeout(async () => {
    try {
      const [{ cleanPictures }, store] = await Promise.all([
        import('./ui/picture/picture-cleaning'),
        pictures(),
      ]);
      if (app.isOpen) await cleanPictures(localStorage, storage, store, () => [app.yard, ...atStart]);
    } catch {
      // they stay until the next time
    }
  }, 5000);
}

// Pictures dropped anywhere on the page go to their form.
addEventListener('picture-files', (event) => {
  if (!app.isOpen) return;
  app.pictureFiles = (event as CustomEvent<{ readonly files: readonly File[] }>).detail.files;
  app.setView({ step: 'measure', way: 'picture', tool: { type: 'select' } });
});

// The last typed letters are stored before the page goes away.
addEventListener('pagehide', () => {
  if (app.isOpen) void app.session.flush();
});
