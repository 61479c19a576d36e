/** What the phone says once, on every screen, when something about keeping is wrong or was mended. */
export const trouble = {
  notSaved: 'NOT SAVED',
  notSavedText:
    'This phone does not take it now. It stays here and is tried again. Save a file; photos or apps deleted make room.',
  unread: 'What is kept on this phone cannot be read',
  unreadText:
    'The table shown is not yours. Close other windows of this app, then open it again. What you do meanwhile stays.',
  readOnly: 'A newer version is open',
  readOnlyText: 'This window only shows. Close all windows of this app and open it again.',
  lost: (records: number) => `${records} records were here, and the browser has lost them`,
  lostText:
    'The second copy on this phone is gone too. Take in your last backup; nothing else brings them back.',
  recovered: (records: number) =>
    records === 1 ? '1 record taken from the second copy' : `${records} records taken from the second copy`,
  recoveredText: 'The browser had lost them. All of them are back. Back up now.',
  some: (back: number, of: number) => `${back} of ${of} records taken from the second copy`,
  someText: (missing: number) =>
    missing === 1
      ? 'The browser had lost them. 1 is missing: the second copy did not have it whole. Take in your last backup.'
      : `The browser had lost them. ${missing} are missing: the second copy did not have them whole. Take in your last backup.`,
  fellBack: 'The new version did not start',
  fellBackText: 'The one before it is shown. The next one comes by itself.',
  file: 'Save a file',
  again: 'Try again',
  takeIn: 'Take in a backup',
  noted: 'Understood',
}
