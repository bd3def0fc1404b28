// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Studies of power against supply voltage over all loads, modes and voltages of an amplifier at once: which model of the
 * supply the readings speak for and what they cannot tell, its values with uncertainties, power at any voltage and
 * load, ratings, the supply cable, differences between groups and resampling.
 *
 * <pre>{@code
 * StudyOutcome outcome = PowerStudy.of(StudyRequest.of(points));
 * if (outcome instanceof PowerStudy study) {
 *     List<String> inWords = study.findings();
 *     PowerPrediction atRating = study.predict(14.4, 4, Mode.STEREO);
 * } else if (outcome instanceof StudyOutcome.Refused refused) {
 *     String whatToDo = refused.reason();
 * }
 * }</pre>
 */
package org.ohmstead.curves.study;
