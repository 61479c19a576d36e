import type { TableName } from '../../shared/database.ts'
import { drawnAnew, openPicture } from '../device/picture.ts'
import { randomId } from '../device/random-id.ts'
import type { Photos } from '../screens/app.ts'
import { photoStore } from '../store/photos.ts'

/** Pictures of fired pots as screens see them. */
export function openPhotos(table: TableName): Photos {
  const store = photoStore(table)
  return {
    open: openPicture,
    drawn: drawnAnew,
    async keep(picture) {
      const photoId = `f.${randomId(16)}`
      await store.put(photoId, picture)
      return photoId
    },
    get: (photoId) => store.get(photoId),
  }
}
