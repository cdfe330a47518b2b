/** Arrow keys in the drawing of the program: up to what a test needs, down to what it unlocks, sideways in the order. */

const boxes = [...document.querySelectorAll<SVGAElement>('.graph a.box')];

for (const box of boxes) {
  box.addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const next = nextFrom(box, event.key);
    if (!next) return;
    event.preventDefault();
    next.focus();
    next.scrollIntoView({ block: 'nearest' });
  });
}

function nextFrom(box: SVGAElement, key: string): SVGAElement | undefined {
  const at = boxes.indexOf(box);
  if (key === 'ArrowLeft') return boxes[at - 1];
  if (key === 'ArrowRight') return boxes[at + 1];
  if (key === 'ArrowUp') return nearest(box, box.dataset.up);
  return key === 'ArrowDown' ? nearest(box, box.dataset.down) : undefined;
}

/** Of the tests a line leads to, the one that stands nearest. */
function nearest(box: SVGAElement, ids = ''): SVGAElement | undefined {
  const wanted = ids.split(' ');
  const from = middleOf(box);
  return boxes
    .filter((one) => wanted.includes(one.id))
    .map((one) => ({ one, away: Math.hypot(middleOf(one).x - from.x, middleOf(one).y - from.y) }))
    .sort((a, b) => a.away - b.away)[0]?.one;
}

function middleOf(box: SVGAElement): { x: number; y: number } {
  const { left, top, width, height } = box.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}
