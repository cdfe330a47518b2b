/** The channel table: a column whose quantity is changed is no longer in its old unit, so its unit is asked again. */

for (const select of document.querySelectorAll<HTMLSelectElement>('select[name$=".quantity"]')) {
  const unit = select.form?.elements.namedItem(select.name.replace(/quantity$/, 'unit'));
  if (!(unit instanceof HTMLSelectElement)) continue;
  select.addEventListener('change', () => {
    if (select.value === '' || select.value === 'ignore') unit.value = '';
    unit.disabled = select.value === 'ignore';
  });
}

/** Work that takes a while says so, and is not sent twice. */
for (const form of document.querySelectorAll<HTMLFormElement>('form[data-long]')) {
  form.addEventListener('submit', () => {
    const button = form.querySelector('button:not([type])');
    if (!(button instanceof HTMLButtonElement)) return;
    button.textContent = `Working: ${form.dataset.long ?? ''} …`;
    setTimeout(() => {
      button.disabled = true;
    });
  });
}
