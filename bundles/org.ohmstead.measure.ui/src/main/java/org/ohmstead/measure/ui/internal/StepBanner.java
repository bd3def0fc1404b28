// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The step at hand, large and plain: what to connect and set, and what will be fed in. */
final class StepBanner extends Composite {
    private static final Messages TEXTS = Messages.of(StepBanner.class);

    private static final double HEADLINE = 2.7;
    private static final double SIGNAL = 1.45;
    private static final int LEAST_WIDTH = 300;

    private final Label caption;
    private final Label headline;
    private final Label signal;
    private final Label connect;

    StepBanner(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.tight(1).spacing(0, 0).applyTo(this);
        BigFonts fonts = new BigFonts(this);
        caption = label("console.step.caption");
        headline = label("console.step.headline");
        headline.setFont(fonts.times(HEADLINE, true));
        signal = label("console.step.signal");
        signal.setFont(fonts.times(SIGNAL, false));
        connect = label("console.step.connect");
    }

    private Label label(String id) {
        Label label = Ids.name(new Label(this, SWT.WRAP), id);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LEAST_WIDTH, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    /** Shows the item at hand, or what to do when there is none. */
    void show(RunDesk runs) {
        Optional<Project> project = runs.project();
        Optional<ItemRow> hand = runs.course().atHand();
        Optional<Step> step =
                project.flatMap(each -> hand.flatMap(row -> each.step(row.item().stepId())));
        Tones tones = Tones.of(this);
        caption.setForeground(tones.mutedText());
        connect.setForeground(tones.mutedText());
        if (step.isEmpty()) {
            put(caption, "");
            put(headline, project.isEmpty() || runs.course().rows().isEmpty() ? "" : TEXTS.text("banner.planDone"));
            put(
                    signal,
                    project.isEmpty() || runs.course().rows().isEmpty()
                            ? ""
                            : doneWords(runs.course().rows()));
            put(connect, "");
            return;
        }
        StepWords words = StepWords.of(project.get(), step.get());
        ItemRow row = hand.get();
        int place = runs.course().rows().indexOf(row) + 1;
        put(
                caption,
                TEXTS.text(
                        "banner.caption",
                        captionWords(row),
                        Integer.toString(place),
                        Integer.toString(runs.course().rows().size()),
                        row.measurement(),
                        row.item().stepId()));
        put(headline, words.headline());
        put(signal, words.signal());
        put(connect, words.connect());
    }

    private static String captionWords(ItemRow row) {
        return switch (row.status()) {
            case RUNNING -> TEXTS.text("banner.measuring");
            case RESTING -> TEXTS.text("banner.resting");
            case FAILED -> TEXTS.text("banner.failed");
            case VOIDED -> TEXTS.text("banner.voided");
            default -> TEXTS.text("banner.next");
        };
    }

    private static String doneWords(List<ItemRow> rows) {
        long skipped = rows.stream()
                .filter(row -> row.status() == ItemRow.Status.SKIPPED)
                .count();
        String measured = Long.toString(rows.size() - skipped);
        return skipped > 0
                ? TEXTS.text("banner.measuredSome", measured, Long.toString(skipped))
                : TEXTS.text("banner.measured", measured);
    }

    private static void put(Label label, String words) {
        if (!label.getText().equals(words)) {
            label.setText(words);
            label.requestLayout();
        }
    }
}
