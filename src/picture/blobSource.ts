interface Slice {
  readonly offset: number;
  readonly length: number;
}

/** A file as the GeoTIFF library reads it: slices on demand, never the whole. */
export function blobSource(file: Blob) {
  const fetchSlice = async ({ offset, length }: Slice) => ({
    offset,
    length,
    data: await file.slice(offset, offset + length).arrayBuffer(),
  });
  return {
    fetch: async (slices: readonly Slice[]) =>
      (await Promise.all(slices.map(fetchSlice))).map(({ data }) => data),
    fetchSlice,
    fileSize: file.size,
    close: async () => undefined,
  };
}
