/** Of the button that asks what would help: the keyboard goes back to it when the answer is put away. */
export const ASK_ID = 'ask-what-would-help';
