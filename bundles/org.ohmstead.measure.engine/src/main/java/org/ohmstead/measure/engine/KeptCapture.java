// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import org.ohmstead.model.CaptureUsed;

/**
 * A recording that a run made and that lies in the project's store.
 *
 * @param used its hash in the store, its name and its scale
 * @param contentSha256 hash of what was recorded, see {@link org.ohmstead.signal.Capture#contentSha256}; a measurement that cannot know the
 *     store names its recordings by it
 * @param input whether it is what was fed in, and not the output
 */
public record KeptCapture(CaptureUsed used, String contentSha256, boolean input) {}
