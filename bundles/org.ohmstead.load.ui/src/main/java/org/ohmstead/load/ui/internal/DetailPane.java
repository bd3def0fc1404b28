// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.load.LoadHeat;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.ProjectDesk;

/** The chosen network: its drawing, and below it the heat of its resistors, its impedance, and how to wire it. */
final class DetailPane extends Composite {
    private static final Messages TEXTS = Messages.of(DetailPane.class);

    private static final int[] DRAWING_AND_TABS = {39, 61};

    private static final int WIRING = 2;

    private final ProjectDesk desk;
    private final DrawingCanvas drawing;
    private final CTabFolder tabs;
    private final MessageLine caution;
    private HeatTable heat;
    private ImpedancePane impedance;
    private WiringPane wiring;
    private Optional<Design> design = Optional.empty();
    private String sentence = "";
    private long newest;
    private boolean complete;

    /** Makes the pane and has its tabs made later; nothing else may be asked of it until it is complete. */
    DetailPane(Composite parent, ProjectDesk desk, Slices building) {
        super(parent, SWT.NONE);
        this.desk = desk;
        Spacing.tight(1).applyTo(this);
        SashForm sash = new SashForm(this, SWT.VERTICAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        drawing = new DrawingCanvas(sash, "design.drawing");
        tabs = Ids.name(new CTabFolder(sash, SWT.TOP | SWT.FLAT), "design.tabs");
        sash.setWeights(DRAWING_AND_TABS);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        caution = new MessageLine(this, "design.caution");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        addDisposeListener(event -> newest++);
        building.add(this::makeHeat);
        building.add(() -> makeImpedance(building));
    }

    private void makeHeat() {
        heat = new HeatTable(tabs);
        tab(TEXTS.text("detail.heat"), heat.control());
        tabs.setSelection(0);
    }

    private void makeImpedance(Slices building) {
        impedance = new ImpedancePane(tabs, building);
        tab(TEXTS.text("detail.impedance"), impedance);
        building.add(this::makeWiring);
    }

    private void makeWiring() {
        wiring = new WiringPane(tabs, desk);
        tab(TEXTS.text("detail.wiring"), wiring);
        tabs.addListener(SWT.Selection, event -> writeList());
        style();
        complete = true;
    }

    /** Returns whether all of it is there. */
    boolean complete() {
        return complete;
    }

    private void tab(String name, Control control) {
        CTabItem item = new CTabItem(tabs, SWT.NONE);
        item.setText(name);
        item.setControl(control);
    }

    /** Writes numbers as the user wants them from now on. */
    void style() {
        impedance.style(
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords()));
        heat.control().refresh();
        design.ifPresent(heat::show);
        drawing.redraw();
    }

    Optional<Design> design() {
        return design;
    }

    /** Shows nothing but what to do next. */
    void clear(String newSentence) {
        newest++;
        design = Optional.empty();
        sentence = newSentence;
        drawing.showMessage(sentence);
        impedance.clear(sentence);
        heat.clear();
        wiring.clear();
        caution.clear();
    }

    /** Works a network out in the background and shows it; of several only the newest. */
    void show(FoundNetwork found, Target target) {
        newest++;
        long number = newest;
        desk.work()
                .start(
                        TEXTS.text("detail.working"),
                        progress -> Design.of(found, target),
                        made -> {
                            if (number == newest && !isDisposed()) {
                                take(made);
                            }
                        },
                        failure -> {
                            if (number == newest && !isDisposed()) {
                                clear(TEXTS.text("detail.failed", failure.getMessage()));
                            }
                        });
    }

    private void take(Design made) {
        design = Optional.of(made);
        drawing.show(made.drawing());
        impedance.show(made.network().network());
        heat.show(made);
        wiring.show(made);
        writeList();
        caution.show(Severity.WARNING, caution(made));
    }

    private void writeList() {
        if (tabs.getSelectionIndex() == WIRING) {
            wiring.write();
        }
    }

    /** What can hurt, in short; the wiring list has it all. */
    private static String caution(Design made) {
        OptionalDouble hottest =
                made.heat().map(LoadHeat::hottestSurfaceCelsius).orElse(OptionalDouble.empty());
        String hot = hottest.isPresent()
                ? TEXTS.text("detail.hotUpTo", Words.celsius(hottest.getAsDouble()))
                : TEXTS.text("detail.hot");
        return hot + " " + TEXTS.text(made.bridged() ? "detail.bridged" : "detail.live");
    }
}
