/** Directives of the page's own content policy. */
export const CONTENT_POLICY: readonly string[]
export const HEADERS: Readonly<Record<string, string>>
