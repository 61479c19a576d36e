/**
 * The one way from a text to a script's address, where the browser has trusted types (W3C): files of our own. Markup or
 * code from texts is refused everywhere.
 */
interface Policies {
  createPolicy(name: 'default', rules: { createScriptURL(text: string): string }): void
}

/** Sets the policy that the page's content policy asks for. */
export function openTrust(): void {
  const { trustedTypes } = globalThis as { trustedTypes?: Policies }
  trustedTypes?.createPolicy('default', {
    createScriptURL(text) {
      if (new URL(text, document.baseURI).origin !== location.origin)
        throw new TypeError(`foreign script ${text}`)
      return text
    },
  })
}
