// The printing browser is looked for by server/setup.mjs; the library must not fetch one while installing.
module.exports = { skipDownload: true };
