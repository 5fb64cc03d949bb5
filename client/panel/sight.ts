/** Which elements can be seen, wholly or in part; `onChange` hears whenever that changes. */
export function watchSight(onChange: () => void) {
  const inView = new Set<Element>();
  const watcher = new IntersectionObserver(changes => {
    for (const { target, isIntersecting } of changes) {
      if (isIntersecting) inView.add(target);
      else inView.delete(target);
    }
    onChange();
  });
  return {
    isSeen: (element: Element) => inView.has(element),
    watch: (element: Element) => watcher.observe(element),
    forget(element: Element) {
      watcher.unobserve(element);
      inView.delete(element);
    },
  };
}
