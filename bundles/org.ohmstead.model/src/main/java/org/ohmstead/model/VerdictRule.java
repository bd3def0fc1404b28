// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * The rule by which ratings are judged.
 *
 * @param kind which way the guard band lies, if there is one
 * @param riskRatio the highest chance that the guarded decision is wrong, above 0 and at most 0.5; simple acceptance ignores it
 */
public record VerdictRule(VerdictKind kind, double riskRatio) {
    public VerdictRule {
        Checks.present(kind, "kind");
        if (!(riskRatio > 0 && riskRatio <= 0.5)) {
            throw new IllegalArgumentException("riskRatio is " + riskRatio + "; it must be above 0 and at most 0.5");
        }
    }

    /** Returns this rule with another kind. */
    public VerdictRule withKind(VerdictKind newKind) {
        return new VerdictRule(newKind, riskRatio);
    }

    /** Returns this rule with another risk. */
    public VerdictRule withRiskRatio(double newRiskRatio) {
        return new VerdictRule(kind, newRiskRatio);
    }
}
