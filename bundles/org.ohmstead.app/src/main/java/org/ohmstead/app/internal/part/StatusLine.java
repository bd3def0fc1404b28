// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.app.internal.AnyChange;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskStatus;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Registration;

/** What the bottom of the window always says: the project, its log, the shared log, the ambient temperature and the supply. */
final class StatusLine extends Composite {
    private static final Messages TEXTS = Messages.of(StatusLine.class);
    private static final int ICON_WIDTH = 16;

    private final ProjectDesk desk;
    private final CLabel project;
    private final CLabel log;
    private final CLabel shared;
    private final CLabel ambient;
    private final CLabel supply;

    /**
     * Makes a line that shows what is on a desk.
     *
     * @param desk what is open
     * @param handOver hands over to the shared log
     */
    StatusLine(Composite parent, ProjectDesk desk, Runnable handOver) {
        super(parent, SWT.NONE);
        this.desk = desk;
        GridLayoutFactory.fillDefaults()
                .numColumns(5)
                .margins(Spacing.GAP, 2)
                .spacing(Spacing.MARGIN, 0)
                .applyTo(this);
        project = label("status.project", TEXTS.text("status.room.project"), 0);
        log = label("status.log", TEXTS.text("status.room.log"), 0);
        shared = label("status.shared", TEXTS.text("status.room.shared"), ICON_WIDTH + Spacing.TIGHT);
        shared.addListener(SWT.MouseUp, click -> {
            if (click.button == 1 && desk.sharing().kind() != SharingState.Kind.OFF) {
                handOver.run();
            }
        });
        ambient = label("status.ambient", TEXTS.text("status.room.air"), 0);
        supply = label("status.supply", TEXTS.text("status.room.supply"), 0);
        Registration registration = desk.listen(new AnyChange(this::show));
        addListener(SWT.Dispose, end -> registration.close());
        show();
    }

    private CLabel label(String id, String longest, int more) {
        CLabel label = new CLabel(this, SWT.NONE); // shortens what does not fit, and the whole stands in its hover
        Ids.name(label, id);
        label.setMargins(0, 1, 0, 1);
        GC gc = new GC(label);
        int width = gc.textExtent(longest).x + Spacing.GAP + more;
        gc.dispose();
        // The room is fixed: the bar gives it once, before there is a project to speak of. With what the platform keeps
        // for itself it must fit beside it in a window 1280 points wide.
        GridDataFactory.swtDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .hint(width, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    private void show() {
        if (isDisposed()) {
            return;
        }
        Optional<DeskStatus> status = desk.status();
        set(project, status.map(this::project).orElseGet(() -> TEXTS.text("status.noProject")));
        set(log, status.map(open -> open.logSentence()).orElse(""));
        set(ambient, status.map(StatusLine::ambient).orElse(""));
        set(supply, status.map(StatusLine::supply).orElse(""));
        String sentences =
                status.map(open -> String.join("\n", open.sentences())).orElse("");
        for (CLabel label : new CLabel[] {project, log, ambient, supply}) {
            label.setToolTipText(sentences);
        }
        showShared(desk.sharing());
    }

    private void showShared(SharingState state) {
        ZoneId zone = ZoneId.systemDefault();
        LocalDate today = LocalDate.now(zone);
        set(shared, SharingText.brief(state, today, zone));
        shared.setToolTipText(SharingText.whole(state, today, zone));
        Image image = icon(state);
        if (shared.getImage() != image) {
            shared.setImage(image);
        }
        boolean waits = state.kind() == SharingState.Kind.WAITING || state.kind() == SharingState.Kind.STOPPED;
        shared.setCursor(waits ? getDisplay().getSystemCursor(SWT.CURSOR_HAND) : null);
    }

    private static Image icon(SharingState state) {
        return switch (state.kind()) {
            case OFF -> null;
            case IN_STEP -> Icons.image("ok");
            case HANDING_OVER -> Icons.image("section-sharedlog");
            case WAITING -> Icons.of(Severity.NOTE);
            case STOPPED -> Icons.of(Severity.WARNING);
        };
    }

    /** A long title loses its end, never the words behind it. */
    private String project(DeskStatus status) {
        String state = status.readOnly() ? "readOnly" : status.dirty() ? "dirty" : "saved";
        String key = "status.project." + state;
        int room = project.getSize().x == 0 ? Integer.MAX_VALUE : project.getSize().x;
        GC gc = new GC(project);
        String title = status.title();
        int length = title.length();
        String text = TEXTS.text(key, title);
        while (length > 1 && gc.textExtent(text).x > room) {
            length--;
            text = TEXTS.text(key, title.substring(0, length).stripTrailing() + "\u2026");
        }
        gc.dispose();
        return text;
    }

    private static String ambient(DeskStatus status) {
        return status.ambientCelsius().isEmpty()
                ? TEXTS.text("status.air.unknown")
                : TEXTS.text(
                        "status.air",
                        Numbers.format("%.1f", status.ambientCelsius().getAsDouble()));
    }

    private static String supply(DeskStatus status) {
        return status.lastSupplyVolts().isPresent()
                ? TEXTS.text(
                        "status.supply",
                        Numbers.format("%.2f", status.lastSupplyVolts().getAsDouble()))
                : TEXTS.text(
                        "status.supply.range",
                        Numbers.format("%.4g", status.supplyLowestVolts()),
                        Numbers.format("%.4g", status.supplyHighestVolts()));
    }

    private static void set(CLabel label, String text) {
        if (!text.equals(label.getText())) {
            label.setText(text);
        }
    }
}
