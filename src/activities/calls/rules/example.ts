/** A section with as many statements as calls need, half of them true. */
export const six =
  "## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n  - Ela bebe chá.\n- [x] Ela sai às dez.\n- [ ] Ela volta cedo.\n  - Ela volta tarde.\n- [x] Ela dorme.\n- [ ] Ela ri.\n  - Ela chora.\n\n";
