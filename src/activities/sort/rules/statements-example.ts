/** A section of statements, half of them true. */
export const fair =
  "## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n  - Ela bebe chá.\n- [x] Ela sai às dez.\n- [ ] Ela volta cedo.\n  - Ela volta tarde.\n\n";
