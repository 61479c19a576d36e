export function licencesText(): string
