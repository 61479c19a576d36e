/**
 * The words for why a part cannot be had. With every part kept, or with a network, it is not that it has not come yet;
 * `kept`: the app is given out from this phone.
 */
export const notHad = (
  w: { readonly missing: string; readonly faulty: string },
  kept = navigator.serviceWorker?.controller != null,
  online = navigator.onLine,
): string => (kept || online ? w.faulty : w.missing)
