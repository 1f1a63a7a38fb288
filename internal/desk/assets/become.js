// @ts-check
// What a page shows becomes what it shall show by changing what differs, so that a link
// keeps the focus and a table its place.

/** Makes what is in an element that of another, where both are built alike by changing what differs. @param {Element} now @param {Element} next */
export function inside(now, next) {
  const [from, to] = [nodes(now), nodes(next)];
  if (from.length !== to.length) now.replaceChildren(...Array.from(next.childNodes));
  else from.forEach((node, i) => become(node, to[i]));
}

/** What stands in an element, but for blanks between tags. @param {Element} e */
function nodes(e) {
  return Array.from(e.childNodes).filter((node) => node instanceof Element || node.textContent?.trim());
}

/** @param {ChildNode} now @param {ChildNode} next */
function become(now, next) {
  if (now.isEqualNode(next)) return;
  if (!(now instanceof Element) || !(next instanceof Element) || now.nodeName !== next.nodeName) {
    now.replaceWith(next);
    return;
  }
  for (const { name } of Array.from(now.attributes)) if (!next.hasAttribute(name)) now.removeAttribute(name);
  for (const { name, value } of Array.from(next.attributes)) if (now.getAttribute(name) !== value) now.setAttribute(name, value);
  inside(now, next);
}
