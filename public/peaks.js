// Sends the peak of each four blocks; the samples themselves stay where they are and are forgotten. A file of its own,
// as the page's content policy takes no script from memory.
registerProcessor(
  'peaks',
  class extends AudioWorkletProcessor {
    n = 0
    peak = 0
    process([[samples]]) {
      for (const x of samples ?? []) this.peak = Math.max(this.peak, Math.abs(x))
      if (++this.n % 4 === 0) {
        this.port.postMessage(this.peak)
        this.peak = 0
      }
      return true
    }
  },
)
