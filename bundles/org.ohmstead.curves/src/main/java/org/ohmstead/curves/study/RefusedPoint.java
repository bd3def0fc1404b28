// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

/**
 * A point that a study could not use.
 *
 * @param point the point
 * @param reason what is wrong with it and what to do, in whole sentences
 */
public record RefusedPoint(StudyPoint point, String reason) {}
