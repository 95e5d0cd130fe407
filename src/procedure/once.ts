/** Work that is done when its result is first asked for, and not again. @internal */
export function once<T>(work: () => T): () => T {
  let done: { readonly result: T } | undefined
  return () => {
    done ??= { result: work() }
    return done.result
  }
}
