export function NotACertificate() {
  return (
    <p className="look-certifies-nothing">
      <strong>Not a certification.</strong> This is what one person said they saw, judged by the limits named. It replaces neither
      the maker's figures nor the law nor an inspection by a licensed shop.
    </p>
  );
}
