/* A practice's choice: whether mean and category may be seen while measuring. Kept on this phone; hidden unless chosen. */

/** The name under which the phone remembers it (`remember`, `recall`): true or false. */
export const SHOW_MEAN = "show_mean";
