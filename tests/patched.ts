/** An input with a patch. */
export function patched<T>(input: T, patch: unknown): T {
  if (Object.getPrototypeOf(patch ?? 0) !== Object.prototype) return patch as T
  const merged: { [key: string]: unknown } = { ...(Array.isArray(input) ? {} : input) }
  for (const [key, change] of Object.entries(patch as object)) {
    if (change === undefined) delete merged[key]
    else merged[key] = patched(merged[key], change)
  }
  return merged as T
}
