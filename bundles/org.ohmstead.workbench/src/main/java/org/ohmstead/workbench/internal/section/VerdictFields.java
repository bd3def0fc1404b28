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
        Field<Optional<VerdictKind>> kind = form.choice("rule", Texts.text("rule.kind"), kinds(), VerdictFields::name);
        page.bind(
                kind,
                "$.sheet.verdictRule.kind",
                Texts.edit("sheet.verdictRule.kind"),
                project -> project.sheet().verdictRule().map(VerdictRule::kind),
                (project, value) ->
                        with(project, value.map(chosen -> usual(project).withKind(chosen))));
        Field<Double> risk = form.percent("risk", Texts.text("rule.risk"));
        risk.setHint(Texts.text("rule.risk.hint"));
        risk.check(value -> {
            if (value <= 0 || value > MOST_RISK) {
                throw new IllegalArgumentException(Texts.text("rule.risk.refused"));
            }
        });
        page.bind(
                risk,
                "$.sheet.verdictRule.riskRatio",
                Texts.edit("sheet.verdictRule.riskRatio"),
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
        return kind.map(Words::of).orElseGet(() -> Texts.text("rule.kind.usual"));
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
        return Texts.text(
                "rule.words." + rule.kind(), Words.percent(rule.riskRatio()), Words.percent(1 - rule.riskRatio()));
    }
}
