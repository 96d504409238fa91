import { formatDuration } from '../../units/format';

/** How long the play of a whole walk takes, s, as text; `walk`: as long as the walk itself. */
export const PLAY_CHOICES = ['15', '30', '60', '120', 'walk'] as const;
export type PlayChoice = (typeof PLAY_CHOICES)[number];

/** "all in 30 s", "all in 2 min", "as long as it takes". */
export function playWords(choice: PlayChoice): string {
  if (choice === 'walk') return 'at walking pace';
  return Number(choice) < 60 ? `all in ${choice}\u00a0s` : `all in ${formatDuration(Number(choice))}`;
}
