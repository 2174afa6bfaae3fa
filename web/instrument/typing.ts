/** Whether a key belongs to what has the focus, and so to no shortcut. */
export const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, select, textarea, dialog, [role="slider"]') !== null
