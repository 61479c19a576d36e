/** What does not show and changes what does: control characters, marks that turn the direction (Unicode, UAX #9). */
export const HIDDEN = /[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/u

/** What bears a name, without what does not show in it: forms refuse that, backups may bring it. */
export const plainlyNamed = <T extends { readonly name: string }>(facts: T): T =>
  HIDDEN.test(facts.name)
    ? { ...facts, name: facts.name.replace(new RegExp(HIDDEN, 'gu'), '') || '?' }
    : facts
