// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.look.Ids;

/** The fields for the rule by which ratings are judged, and what it means in words. */
final class VerdictFields {
    private static final double MOST_RISK = 0.5;
    private static final double FINEST_RISK = 1e-6;

    private VerdictFields() {}

    static void add(FormPage page, FormSection form) {
        Field<Optional<VerdictKind>> kind = form.choice("rule", "&Rule", kinds(), VerdictFields::name);
        page.bind(
                kind,
                "$.sheet.verdictRule.kind",
                "Set sheet " + PlaceWords.field("verdictRule.kind"),
                project -> project.sheet().verdictRule().map(VerdictRule::kind),
                (project, value) ->
                        with(project, value.map(chosen -> usual(project).withKind(chosen))));
        Field<Double> risk = form.percent("risk", "Ris&k");
        risk.setHint("The highest chance that the guarded verdict is wrong; 5 % is usual.");
        risk.check(value -> {
            if (value <= 0 || value > MOST_RISK) {
                throw new IllegalArgumentException("It must be above 0 % and at most 50 %; 5 % is usual.");
            }
        });
        page.bind(
                risk,
                "$.sheet.verdictRule.riskRatio",
                "Set sheet " + PlaceWords.field("verdictRule.riskRatio"),
                project -> usual(project).riskRatio(),
                (project, value) -> with(project, Optional.of(usual(project).withRiskRatio(value))));
        Label words = Ids.name(form.note(""), form.id() + ".words");
        page.add(project -> {
            risk.setVisible(project.sheet()
                    .verdictRule()
                    .filter(rule -> rule.kind() != VerdictKind.SIMPLE_ACCEPTANCE)
                    .isPresent());
            words.setText(inWords(usual(project)));
            words.requestLayout();
        });
    }

    private static List<Optional<VerdictKind>> kinds() {
        List<Optional<VerdictKind>> kinds = new ArrayList<>();
        kinds.add(Optional.empty());
        for (VerdictKind each : VerdictKind.values()) {
            kinds.add(Optional.of(each));
        }
        return kinds;
    }

    private static String name(Optional<VerdictKind> kind) {
        return kind.map(Words::of).orElse("as the confidence says");
    }

    /** The risk that the confidence leaves is rounded: 1 - 0.95 is 0.05 and a little. */
    private static VerdictRule usual(Project project) {
        SheetSettings sheet = project.sheet();
        VerdictRule rule = sheet.rule();
        return sheet.verdictRule().isPresent()
                ? rule
                : rule.withRiskRatio(Math.rint(rule.riskRatio() / FINEST_RISK) * FINEST_RISK);
    }

    private static Project with(Project project, Optional<VerdictRule> rule) {
        return project.withSheet(project.sheet().withVerdictRule(rule));
    }

    /** Returns what a rule means, and which risk it leaves to whom (JCGM 106, clause 8). */
    static String inWords(VerdictRule rule) {
        String risk = Words.percent(rule.riskRatio());
        return switch (rule.kind()) {
            case SIMPLE_ACCEPTANCE -> "A rating is met where the measured value reaches it, and falls short where it does"
                    + " not; the uncertainty plays no part. Close to the rating a verdict is wrong with a chance of up to"
                    + " 50 %, to either side.";
            case GUARDED_ACCEPTANCE -> "A rating is met only where the measured value lies above it by a guard band. What is"
                    + " called met falls short in truth with a chance of at most " + risk
                    + ", and the other way round; between the two guard bands the verdict is undecided.";
            case GUARDED_REJECTION -> "A rating falls short only where the measured value lies below it by a guard band."
                    + " What is said to fall short is met in truth with a chance of at most " + risk
                    + "; what is called met may fall short with a chance of up to "
                    + Words.percent(1 - rule.riskRatio()) + ".";
        };
    }
}
