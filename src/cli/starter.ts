/** The recipe that `halfshade new` writes. A test checks that it has no errors and that its expectations hold. */
export const starter = `halfshade 1
recipe "My set-up"
`;
