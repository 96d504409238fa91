import { html, type TemplateResult } from 'lit';
import { SPECIES } from '../../need/species';
import { SEASON_WORDS } from '../../words/needWords';
import { GRASS_SEASONS } from '../../yard/types';
import { fieldValue } from '../parts/app-part';

/** Choice of a grass, cool-season and warm-season apart. @param none words for the empty choice; `set` gets the id */
export function speciesField(
  label: string,
  speciesId: string,
  none: string,
  set: (speciesId: string) => void,
): TemplateResult {
  return html`<label>${label}<select @change=${(event: Event) => set(fieldValue(event))}>
    <option value="" .selected=${speciesId === ''}>${none}</option>
    ${GRASS_SEASONS.map(
      (season) =>
        html`<optgroup label=${SEASON_WORDS[season]}>${SPECIES.filter(
          (species) => species.season === season,
        ).map(
          ({ id, name, latin }) =>
            html`<option value=${id} .selected=${id === speciesId} title=${latin}>${name}</option>`,
        )}</optgroup>`,
    )}
  </select></label>`;
}
