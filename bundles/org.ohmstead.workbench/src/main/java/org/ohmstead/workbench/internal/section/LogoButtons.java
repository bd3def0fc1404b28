// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** The buttons that choose a logo and take it away. A file from outside is copied into the project, so that it goes with it. */
final class LogoButtons {
    private static final int MOST_BYTES = 512 * 1024;

    private final FormPage page;
    private final FormSection form;
    private final ProjectDesk desk;
    private final LayoutFields layout;
    private NoteLine note;

    LogoButtons(FormPage page, FormSection form, ProjectDesk desk, LayoutFields layout) {
        this.page = page;
        this.form = form;
        this.desk = desk;
        this.layout = layout;
    }

    void add() {
        Composite row = new Composite(form, SWT.NONE);
        Spacing.group(2).applyTo(row);
        GridDataFactory.fillDefaults().align(SWT.END, SWT.CENTER).applyTo(row);
        Button choose = Buttons.push(row, form.id() + ".logo.choose", Texts.text("layout.logo.choose"));
        Button clear = Buttons.push(row, form.id() + ".logo.clear", Texts.text("layout.logo.clear"));
        note = page.note(form, "logo.note");
        choose.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> ask().ifPresent(this::use)));
        clear.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> set("")));
        page.add(new Binding() {
            private boolean hasLogo;
            private boolean readOnly;

            @Override
            public void showProject(Project project) {
                hasLogo = !project.sheet().layout().logoFile().isEmpty();
                allow();
            }

            @Override
            public void setReadOnly(boolean newReadOnly) {
                readOnly = newReadOnly;
                allow();
            }

            private void allow() {
                choose.setEnabled(!readOnly);
                clear.setEnabled(!readOnly && hasLogo);
            }
        });
    }

    private Optional<Path> ask() {
        FileDialog dialog = new FileDialog(form.getShell(), SWT.OPEN);
        dialog.setText(Texts.text("layout.logo.dialog"));
        dialog.setFilterNames(new String[] {Texts.text("layout.logo.filter")});
        dialog.setFilterExtensions(new String[] {
            SheetLayout.LOGO_ENDINGS.stream().map(ending -> "*" + ending).collect(Collectors.joining(";"))
        });
        desk.session()
                .ifPresent(session -> dialog.setFilterPath(session.folder().toString()));
        return Optional.ofNullable(dialog.open()).map(Path::of);
    }

    private void set(String file) {
        note.clear();
        layout.setLogo(file);
    }

    /** Takes a file as the logo: where it lies when that is in the project, else after copying it there in the background. */
    void use(Path file) {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            return;
        }
        Path folder = session.get().folder().toAbsolutePath().normalize();
        Path chosen = file.toAbsolutePath().normalize();
        if (chosen.startsWith(folder)) {
            set(words(folder.relativize(chosen)));
            return;
        }
        Path sheets = session.get().sheetsFolder();
        desk.work()
                .start(
                        Texts.text("layout.logo.copying"),
                        progress -> copy(chosen, sheets),
                        copied -> taken(session.get(), copied),
                        failure -> say(Severity.ERROR, failure.getMessage()));
    }

    private void taken(ProjectSession into, Path copied) {
        // Another project may be open by now; the copy then stays where it is and does no harm.
        if (form.isDisposed() || desk.session().filter(into::equals).isEmpty()) {
            return;
        }
        set(words(into.folder()
                .toAbsolutePath()
                .normalize()
                .relativize(copied.toAbsolutePath().normalize())));
        say(Severity.NOTE, Texts.text("layout.logo.copied", copied.getFileName().toString()));
    }

    private void say(Severity severity, String sentence) {
        if (!form.isDisposed()) {
            note.show(severity, sentence);
            page.fit();
        }
    }

    private Path copy(Path from, Path sheets) throws IOException {
        String name = from.getFileName().toString();
        try {
            long bytes = Files.size(from);
            if (bytes > MOST_BYTES) {
                throw new IOException(Texts.text("layout.logo.large", name, Long.toString(bytes / 1024)));
            }
            Files.createDirectories(sheets);
            Path target = free(sheets, from);
            if (!Files.exists(target)) {
                WholeFiles.<IOException>write(target, stream -> Files.copy(from, stream));
            }
            return target;
        } catch (FileSystemException refused) {
            throw new IOException(Texts.text("layout.logo.failed", name, refused.getMessage()), refused);
        }
    }

    /** Returns where a file can go without replacing another; that it lies there already is no hindrance. */
    private static Path free(Path sheets, Path from) throws IOException {
        String name = from.getFileName().toString();
        int dot = name.lastIndexOf('.');
        String stem = dot < 0 ? name : name.substring(0, dot);
        String ending = dot < 0 ? "" : name.substring(dot);
        Path target = sheets.resolve(name);
        for (int number = 2; Files.exists(target) && Files.mismatch(from, target) >= 0; number++) {
            target = sheets.resolve(stem + "-" + number + ending);
        }
        return target;
    }

    /** Names within a project are written with slashes, whatever the system. */
    private static String words(Path relative) {
        List<String> names = new ArrayList<>();
        relative.forEach(name -> names.add(name.toString()));
        return String.join("/", names);
    }
}
