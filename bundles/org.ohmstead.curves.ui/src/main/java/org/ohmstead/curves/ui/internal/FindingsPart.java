// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.curves.study.ModelChoice;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** What the joint study means, in sentences that can be selected and copied. */
final class FindingsPart implements StudyPart {
    private static final Messages TEXTS = Messages.of(FindingsPart.class);

    private final StyledText text;

    FindingsPart(Composite parent) {
        text = Ids.name(new StyledText(parent, SWT.MULTI | SWT.WRAP | SWT.READ_ONLY | SWT.V_SCROLL), "power.findings");
        text.setMargins(Spacing.GAP, Spacing.GAP, Spacing.GAP, Spacing.GAP);
        text.setLineSpacing(Spacing.TIGHT / 2);
        // Without it the tab key would stay in the text.
        text.addTraverseListener(event ->
                event.doit |= event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
    }

    /** A heading with the sentences below it. */
    record Block(String heading, List<String> sentences) {}

    @Override
    public String title() {
        return TEXTS.text("findings.title");
    }

    @Override
    public Control control() {
        return text;
    }

    @Override
    public void show(InView view) {
        List<Block> blocks =
                view.study().map(FindingsPart::blocks).orElse(List.of(new Block("", List.of(view.whyNothing()))));
        StringBuilder words = new StringBuilder();
        List<StyleRange> bold = new ArrayList<>();
        for (Block block : blocks) {
            if (!block.heading().isEmpty()) {
                words.append(words.length() == 0 ? "" : "\n");
                bold.add(new StyleRange(words.length(), block.heading().length(), null, null, SWT.BOLD));
                words.append(block.heading()).append('\n');
            }
            block.sentences().forEach(each -> words.append(each).append('\n'));
        }
        String wanted = words.toString().stripTrailing();
        if (!wanted.equals(text.getText())) {
            text.setText(wanted);
            text.setStyleRanges(bold.toArray(StyleRange[]::new));
        }
    }

    /** Returns what there is to say of a study. */
    static List<Block> blocks(JointStudy joint) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block(
                joint.study().isPresent() ? TEXTS.text("findings.all") : TEXTS.text("findings.noStudy"),
                joint.findings().stream().map(Numbers::inSentence).toList()));
        joint.study().ifPresent(study -> blocks.add(models(study)));
        if (!joint.refused().isEmpty()) {
            blocks.add(new Block(
                    TEXTS.text("findings.notUsed"),
                    joint.refused().stream()
                            .map(each -> Numbers.inSentence(each.point().inWords() + ": " + each.reason()))
                            .toList()));
        }
        return blocks;
    }

    private static Block models(PowerStudy study) {
        List<String> lines = new ArrayList<>();
        for (ModelChoice.Compared each : study.choice().compared()) {
            boolean chosen = each.kind() == study.fit().kind();
            String distance = each.aboveChosen().isPresent() && !chosen
                    ? TEXTS.text(
                            "findings.against",
                            Figures.signed(each.aboveChosen().getAsDouble(), 1))
                    : "";
            boolean rival = study.choice().rivals().stream().anyMatch(fit -> fit.kind() == each.kind());
            String rank = chosen ? TEXTS.text("findings.chosen") : rival ? TEXTS.text("findings.rival") : "";
            String remark = Numbers.inSentence(each.remark());
            String said = String.join(
                    " ",
                    List.of(rank, distance, remark).stream()
                            .filter(word -> !word.isEmpty())
                            .toList());
            lines.add(
                    capital(each.kind().words()) + ": " + (said.isEmpty() ? TEXTS.text("findings.notCompared") : said));
        }
        return new Block(TEXTS.text("findings.models"), lines);
    }

    private static String capital(String words) {
        return Optional.of(words)
                .filter(each -> !each.isEmpty())
                .map(each -> Character.toUpperCase(each.charAt(0)) + each.substring(1))
                .orElse("");
    }
}
