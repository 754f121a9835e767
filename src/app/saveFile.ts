/** Hands a file to the person: as a download, or through the system's share sheet. */
export function saveFile(file: File): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  // The download has its own hold on the data once the click was handled.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

export function canShareFiles(): boolean {
  const probe = new File(['{}'], 'gloveside.json', { type: 'application/json' });
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [probe] });
}

/** Rejects with `AbortError` when the person closes the sheet. */
export function shareFile(file: File): Promise<void> {
  return navigator.share({ files: [file], title: file.name });
}
