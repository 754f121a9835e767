/** Nothing to show here, why, and the way out. */
export function Missing({ sentence, onHome }: { readonly sentence: string; readonly onHome: () => void }) {
  return (
    <main className="page">
      <h1>Not here</h1>
      <p role="alert">{sentence}</p>
      <button type="button" className="slab" onClick={onHome}>
        Home
      </button>
    </main>
  );
}
