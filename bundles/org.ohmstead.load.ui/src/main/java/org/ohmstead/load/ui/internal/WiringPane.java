// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.ohmstead.load.drawing.NetworkSvg;
import org.ohmstead.model.Severity;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.table.CopiedTable;

/** The list by which a technician wires the network, to read, to copy, and the drawing to save. */
final class WiringPane extends Composite {
    private static final Messages TEXTS = Messages.of(WiringPane.class);

    private final ProjectDesk desk;
    private final StyledText text;
    private final Button copy;
    private final Button save;
    private final MessageLine message;
    private Optional<Design> design = Optional.empty();

    WiringPane(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        Spacing.tight(3).applyTo(this);
        copy = button(TEXTS.text("wiring.copy"), "design.wiring.copy", this::copyList);
        save = button(TEXTS.text("wiring.save"), "design.drawing.save", this::choosePicture);
        save.setToolTipText(TEXTS.text("wiring.saveHint"));
        message = new MessageLine(this, "design.wiring.message");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(message);
        text = Ids.name(
                new StyledText(this, SWT.BORDER | SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL),
                "design.wiring");
        text.setFont(JFaceResources.getTextFont());
        text.setMargins(Spacing.GAP, Spacing.TIGHT, Spacing.GAP, Spacing.TIGHT);
        GridDataFactory.fillDefaults().grab(true, true).span(3, 1).hint(1, 1).applyTo(text);
        // Tab leaves the text, as it does every other control.
        text.addListener(SWT.Traverse, event -> event.doit = true);
        clear();
    }

    private Button button(String label, String id, Runnable action) {
        Button button = Ids.name(new Button(this, SWT.PUSH), id);
        button.setText(label);
        button.addListener(SWT.Selection, event -> action.run());
        return button;
    }

    /** Takes a network; its list is written when the pane is looked at, since long texts take their time to be laid out. */
    void show(Design newDesign) {
        design = Optional.of(newDesign);
        message.clear();
        text.setText("");
        enable();
    }

    /** Writes the list of the network that was taken. */
    void write() {
        if (design.isPresent() && text.getCharCount() == 0) {
            text.setText(design.get().wiring().text());
            Emphasis.apply(text);
        }
    }

    void clear() {
        design = Optional.empty();
        text.setText("");
        message.clear();
        enable();
    }

    private void enable() {
        copy.setEnabled(design.isPresent());
        save.setEnabled(design.isPresent());
    }

    private void copyList() {
        design.ifPresent(each -> {
            CopiedTable.toClipboard(
                    getDisplay(),
                    each.network().notation() + "\n\n" + each.wiring().text());
            message.mention(TEXTS.text("wiring.copied"));
        });
    }

    private void choosePicture() {
        FileDialog dialog = new FileDialog(getShell(), SWT.SAVE);
        dialog.setText(TEXTS.text("wiring.saveTitle"));
        dialog.setFilterExtensions(new String[] {"*.svg"});
        dialog.setFileName("load.svg");
        dialog.setOverwrite(true);
        String name = dialog.open();
        if (name != null) {
            save(Path.of(name.endsWith(".svg") ? name : name + ".svg"));
        }
    }

    /** Writes the drawing in the background, as for paper. */
    void save(Path file) {
        design.ifPresent(each -> desk.work()
                .start(
                        TEXTS.text("wiring.saving"),
                        progress -> write(file, NetworkSvg.write(each.drawing(), NetworkSvg.Look.LIGHT)),
                        written -> say(Severity.NOTE, TEXTS.text("wiring.saved", written.getFileName())),
                        failure -> say(
                                Severity.ERROR,
                                TEXTS.text("wiring.notSaved", file.getFileName(), failure.getMessage()))));
    }

    private static Path write(Path file, String svg) throws IOException {
        return WholeFiles.writeText(file, svg);
    }

    private void say(Severity severity, String sentence) {
        if (!isDisposed()) {
            message.show(severity, sentence);
        }
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && text.setFocus();
    }
}
