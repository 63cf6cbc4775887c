/** A name with its article, once; what has a number needs none. */
export const the = (name: string): string => (/^the /i.test(name) || /\d$/.test(name) ? name : `the ${name}`);
