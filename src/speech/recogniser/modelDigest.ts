/** Written by tests/tools/buildModel.ts beside public/ears/model.bin. */
export const MODEL_BYTES = 1754038;
export const MODEL_SHA256 = 'b08aa30d0522daa055aa1519d8a3e2b53e0a988a9e068797b4a51733fa4fee9d';
