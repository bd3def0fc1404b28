// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.plan.Impossible;
import org.ohmstead.thermal.plan.Obstacle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** How long it all takes, and what stands in the way of it. */
final class ForecastSummary extends Composite {
    private static final Messages TEXTS = Messages.of(ForecastSummary.class);
    private static final int LEAST_WIDTH = 200;

    private final Label summary;
    private final Label message;
    private final MessageLine state;
    private final Button show;
    private Optional<String> culprit = Optional.empty();
    private String standing = "";
    private Severity standingSeverity = Severity.NOTE;

    ForecastSummary(Composite parent, Consumer<String> jump) {
        super(parent, SWT.NONE);
        Spacing.tight(2).applyTo(this);
        summary = Ids.name(new Label(this, SWT.WRAP), "forecast.summary");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .span(2, 1)
                .hint(LEAST_WIDTH, SWT.DEFAULT)
                .applyTo(summary);
        message = Ids.name(new Label(this, SWT.WRAP), "forecast.message");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .span(2, 1)
                .hint(LEAST_WIDTH, SWT.DEFAULT)
                .applyTo(message);
        state = new MessageLine(this, "forecast.state");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(state);
        show = Ids.name(new Button(this, SWT.PUSH), "forecast.culprit");
        show.setText(TEXTS.text("summary.show"));
        GridDataFactory.swtDefaults().applyTo(show);
        show.addListener(SWT.Selection, event -> culprit.ifPresent(jump));
        mention("");
        clear();
    }

    /** Shows nothing. */
    void clear() {
        put(summary, "");
        culprit = Optional.empty();
        stand(Severity.NOTE, "");
    }

    /** Shows what a forecast comes to. */
    void show(Forecast forecast) {
        put(summary, forecast.schedule().map(ForecastWords::summary).orElse(TEXTS.text("summary.impossible")));
        Optional<Obstacle> obstacle = forecast.impossible().map(ForecastSummary::first);
        culprit = obstacle.flatMap(Obstacle::jobId);
        if (obstacle.isPresent()) {
            int more = (int) forecast.impossible().orElseThrow().obstacles().stream()
                            .flatMap(each -> each.jobId().stream())
                            .distinct()
                            .count()
                    - 1;
            String first = ForecastWords.obstacle(obstacle.get());
            String others = more == 1 ? "summary.others.one" : "summary.others.many";
            stand(Severity.ERROR, more > 0 ? TEXTS.text(others, first, Integer.toString(more)) : first);
        } else {
            stand(Severity.WARNING, ForecastOrder.sentence(forecast).orElse(""));
        }
    }

    private static Obstacle first(Impossible impossible) {
        return impossible.obstacles().get(0);
    }

    private void stand(Severity severity, String sentence) {
        standing = sentence;
        standingSeverity = severity;
        again();
    }

    /** Says what came of a search; the empty text says nothing. */
    void mention(String sentence) {
        put(message, sentence);
        shown(message, !sentence.isEmpty());
    }

    /** Says something until the next change. */
    void say(Severity severity, String sentence) {
        line(severity, sentence);
        shown(show, false);
    }

    /** Says again what stands in the way, or nothing. */
    void again() {
        line(standingSeverity, standing);
        shown(show, culprit.isPresent());
    }

    private void line(Severity severity, String sentence) {
        if (sentence.isEmpty()) {
            state.clear();
        } else {
            state.show(severity, sentence);
        }
        shown(state, !sentence.isEmpty());
    }

    private static void put(Label label, String text) {
        if (!text.equals(label.getText())) {
            label.setText(text);
            label.requestLayout();
        }
    }

    private static void shown(Control control, boolean wanted) {
        GridData data = (GridData) control.getLayoutData();
        if (data.exclude == wanted) {
            data.exclude = !wanted;
            control.setVisible(wanted);
            control.requestLayout();
        }
    }
}
