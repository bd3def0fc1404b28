// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.Optional;
import org.ohmstead.model.Rating;

/**
 * A rating and what became of it.
 *
 * @param rating the maker's claim
 * @param outcome what was found; empty when no reading fits the rating
 * @param remark a plain sentence that goes with it; may be empty
 */
public record RatingResult(Rating rating, Optional<RatingOutcome> outcome, String remark) {}
