/**
 * Notices, always through the service worker: a page's own are refused on phones. Posted from a page they
 * ring only while it runs; one posted ahead, naming the due time, stays to be read.
 */
import type { NoticePermission, Notices } from './ports.ts'

/** Fields that browsers know and the DOM types do not. */
interface FullOptions extends NotificationOptions {
  renotify?: boolean
  timestamp?: number
  vibrate?: number[]
}

const BUZZ_MS = [300, 120, 300]

export function openNotices(): Notices {
  const permission = (): NoticePermission => {
    if (!('Notification' in globalThis) || !('serviceWorker' in navigator)) return 'absent'
    return Notification.permission === 'default' ? 'ask' : Notification.permission
  }
  const registration = async (): Promise<ServiceWorkerRegistration | undefined> =>
    permission() === 'granted' ? navigator.serviceWorker.getRegistration() : undefined

  /** Asking the phone takes a slow one milliseconds: what is known to be so already is not asked for again. */
  const bare = new Set<string>()
  let shown: number | undefined

  return {
    permission,
    async ask() {
      if (permission() === 'ask') await Notification.requestPermission()
      return permission()
    },
    async post(notice) {
      bare.delete(notice.tag)
      const through = await registration()
      if (!through?.active) return false
      const options: FullOptions = {
        tag: notice.tag,
        body: notice.body,
        timestamp: notice.atMs,
        silent: notice.silent,
        renotify: !notice.silent,
        requireInteraction: !notice.silent,
        ...(notice.silent ? {} : { vibrate: BUZZ_MS }),
      }
      return through.showNotification(notice.title, options).then(
        () => true,
        () => false,
      )
    },
    async clear(tag) {
      if (bare.has(tag)) return
      bare.add(tag)
      const posted = await (await registration())?.getNotifications({ tag })
      for (const each of posted ?? []) each.close()
    },
    badge(count) {
      if (count === shown) return
      shown = count
      const done = count > 0 ? navigator.setAppBadge?.(count) : navigator.clearAppBadge?.()
      done?.catch(() => undefined)
    },
  }
}
