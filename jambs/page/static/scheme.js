// Before anything is drawn: light or dark, as it was chosen, else as the system has it.
document.documentElement.dataset.scheme =
  localStorage.getItem("jambs-scheme") || (matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light");
