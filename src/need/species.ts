import type { GrassSeason } from '../yard/types';

/** A grass of a lawn, or a group that publications treat alike. */
export interface Species {
  /** stable, kept in the document. */
  readonly id: string;
  readonly name: string;
  readonly latin: string;
  readonly season: GrassSeason;
}

/** Turf grasses by season, each season in the order of the alphabet. Names as extension bulletins give them. */
export const SPECIES: readonly Species[] = [
  species('annual-bluegrass', 'Annual bluegrass', 'Poa annua', 'cool-season'),
  species('creeping-bentgrass', 'Bentgrass', 'Agrostis stolonifera', 'cool-season'),
  species('fine-fescue', 'Fine fescues', 'Festuca rubra and kin', 'cool-season'),
  species('kentucky-bluegrass', 'Kentucky bluegrass', 'Poa pratensis', 'cool-season'),
  species('perennial-ryegrass', 'Perennial ryegrass', 'Lolium perenne', 'cool-season'),
  species('tall-fescue', 'Tall fescue', 'Schedonorus arundinaceus', 'cool-season'),
  species('bahiagrass', 'Bahiagrass', 'Paspalum notatum', 'warm-season'),
  species('bermudagrass', 'Bermudagrass', 'Cynodon', 'warm-season'),
  species('buffalograss', 'Buffalograss', 'Bouteloua dactyloides', 'warm-season'),
  species('centipedegrass', 'Centipedegrass', 'Eremochloa ophiuroides', 'warm-season'),
  species('st-augustinegrass', 'St. Augustinegrass', 'Stenotaphrum secundatum', 'warm-season'),
  species('zoysiagrass', 'Zoysiagrass', 'Zoysia', 'warm-season'),
];

function species(id: string, name: string, latin: string, season: GrassSeason): Species {
  return { id, name, latin, season };
}

/** @returns the species of that id; null for the empty id and for one that is not known here. */
export function findSpecies(id: string): Species | null {
  return SPECIES.find((each) => each.id === id) ?? null;
}
