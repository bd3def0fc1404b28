// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Whether a bench is still to be trusted, told by the check standards of its project: their values are picked out of the test log,
 * charted, tested and compared, and what is wrong is said as problems before a run.
 *
 * <pre>{@code
 * for (QualityReview review : QualityReview.all(project, log.entries(LogQuery.everything()), LocalDate.now(), ZoneId.systemDefault())) {
 *     review.findings().forEach(finding -> show(finding.sentence(), finding.remedy()));
 *     QualityPlots.individuals(review).ifPresent(plot -> draw(plot));
 * }
 * }</pre>
 */
package org.ohmstead.history.quality;
