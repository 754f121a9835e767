/** Stands wherever demo data is shown. */
export function DemoMark({ demo }: { readonly demo: boolean }) {
  return demo ? <strong className="look-demo">Demo data: made up, to try things out.</strong> : null;
}
