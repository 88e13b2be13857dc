// What a page tells its script in the viewer's language: texts by name, with named gaps. Of two texts the first is for one, the second for any other number.
export function wordsOf(root) {
  const texts = JSON.parse(root.dataset.words);
  const whole = new Intl.NumberFormat(root.dataset.locale || undefined);
  return (name, gaps = {}) => {
    const [one, other = one] = [texts[name]].flat();
    return (gaps.number === 1 ? one : other).replace(/\{(\w+)\}/g, (_, gap) => (typeof gaps[gap] === 'number' ? whole.format(gaps[gap]) : gaps[gap]));
  };
}
