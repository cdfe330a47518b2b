/** A file chosen on this computer fills the text box below it; without script the text is pasted. */

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-file-text]')) {
  const box = form.elements.namedItem(form.dataset.fileText ?? '');
  if (!(box instanceof HTMLTextAreaElement)) continue;
  const field = document.createElement('div');
  field.className = 'field';
  const label = document.createElement('label');
  label.htmlFor = 'file-text';
  label.textContent = 'From a file, or paste it below';
  const input = document.createElement('input');
  input.type = 'file';
  input.id = 'file-text';
  input.accept = '.json,application/json';
  input.addEventListener('change', async () => {
    const [file] = input.files ?? [];
    if (file) box.value = await file.text();
  });
  field.append(label, input);
  form.prepend(field);
}
