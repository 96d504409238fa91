/** What the Measure screen keeps folded; fetched when a fold is opened first. */
import './base-layer-panel';
import './mark-list';
import './place-finder';
import './way-list';
