/** Holds the screen on until it is ended. */
export interface ScreenKeeper {
  end(): void;
}

/**
 * Keeps the screen on by a Screen Wake Lock (W3C). The browser lets go of it whenever the page is hidden;
 * it is asked for again when the page is seen.
 * @param changed told whether the screen is kept on just now; false at once where the browser cannot
 */
export function keepScreenOn(changed: (isKept: boolean) => void): ScreenKeeper {
  let isEnded = false;
  let lock: WakeLockSentinel | null = null;

  async function ask(): Promise<void> {
    if (isEnded || document.visibilityState !== 'visible') return;
    try {
      const got = await navigator.wakeLock?.request('screen');
      if (isEnded) return void got?.release();
      lock = got ?? null;
      lock?.addEventListener('release', () => {
        if (!isEnded) changed(false);
      });
      changed(lock !== null);
    } catch {
      // refused: low battery, or a setting of the device
      changed(false);
    }
  }

  const onVisible = () => void ask();
  document.addEventListener('visibilitychange', onVisible);
  void ask();
  return {
    end() {
      isEnded = true;
      document.removeEventListener('visibilitychange', onVisible);
      void lock?.release();
    },
  };
}
