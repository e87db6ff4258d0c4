// An opening that cannot be built: as soon as the house is another one, it is looked at anew.

document.addEventListener("house", () => location.reload());
document.addEventListener("keydown", (event) => {
  if (event.target !== document.body || event.ctrlKey || event.metaKey) return;
  document.querySelector({ "[": "[rel=prev]", "]": "[rel=next]" }[event.key] || "none")?.click();
});
