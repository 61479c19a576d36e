import type { Browser, Page } from 'puppeteer-core'

/**
 * Freezes a page as Android does with one in the background: hidden behind another page first. Resolves when
 * its `freeze` event has fired, and throws when none did: then nothing was proven. Call the result to wake it.
 */
export async function freeze(page: Page): Promise<() => Promise<void>> {
  await page.evaluate(() => {
    sessionStorage.removeItem('frozen')
    document.addEventListener('freeze', () => sessionStorage.setItem('frozen', 'true'), { once: true })
  })
  const cover = await page.browser().newPage()
  await cover.bringToFront()
  const session = await page.createCDPSession()
  await session.send('Page.setWebLifecycleState', { state: 'frozen' })
  return async () => {
    await session.send('Page.setWebLifecycleState', { state: 'active' })
    await page.bringToFront()
    await cover.close()
    const fired = await page.evaluate(() => sessionStorage.getItem('frozen'))
    await session.detach()
    if (fired !== 'true') throw new Error('the page was not frozen')
  }
}

/**
 * Stops the pages' processes without any event, as iOS does. Call the result to let them go on.
 */
export async function suspend(browser: Browser): Promise<() => void> {
  const session = await browser.target().createCDPSession()
  const { processInfo } = await session.send('SystemInfo.getProcessInfo')
  await session.detach()
  const renderers = processInfo.filter((entry) => entry.type === 'renderer').map((entry) => entry.id)
  if (renderers.length === 0) throw new Error('no renderer to stop')
  for (const pid of renderers) process.kill(pid, 'SIGSTOP')
  return () => {
    for (const pid of renderers) process.kill(pid, 'SIGCONT')
  }
}
