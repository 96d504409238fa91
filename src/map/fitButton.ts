import { strokedSymbol } from './marks';

const FRAME = 'M4 9V4H9M15 4H20V9M20 15V20H15M9 20H4V15M9 9H15V15H9Z';

/** The button below the zoom buttons that shows everything drawn. */
export function createFitButton(onPress: () => void): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'yard-fit';
  button.title = 'Whole yard';
  button.setAttribute('aria-label', 'Whole yard');
  button.append(strokedSymbol(FRAME));
  button.addEventListener('click', onPress);
  return button;
}
