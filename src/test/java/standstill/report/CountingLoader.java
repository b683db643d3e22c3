package standstill.report;

import com.tngtech.archunit.thirdparty.org.objectweb.asm.ClassReader;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.ClassVisitor;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.ClassWriter;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.Label;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.MethodVisitor;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.Opcodes;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.Type;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Loads this program and the engine of its patterns once more, with {@link Steps} counting in them.
 *
 * <p>The reader of class files is the one that ArchUnit brings along: a dependency of our own would
 * narrow the scope of the server's.
 */
final class CountingLoader extends ClassLoader {
  private static final String STEPS = Type.getInternalName(Steps.class);
  private static final Set<String> LED_ASIDE =
      Set.of("java/lang/String", "java/lang/StringBuilder", "java/util/List");

  /** Counting stand-ins by name and descriptor, the receiver being the first argument. */
  private static final Map<String, String> STAND_INS = new HashMap<>();

  static {
    for (java.lang.reflect.Method method : Steps.class.getMethods()) {
      if (method.getDeclaringClass() == Steps.class && method.getParameterCount() > 0) {
        Type[] arguments = Type.getArgumentTypes(method);
        String called =
            Type.getMethodDescriptor(
                Type.getReturnType(method), Arrays.copyOfRange(arguments, 1, arguments.length));
        STAND_INS.put(
            arguments[0].getInternalName() + "." + method.getName() + called,
            Type.getMethodDescriptor(method));
      }
    }
  }

  CountingLoader() {
    super(CountingLoader.class.getClassLoader());
  }

  @Override
  protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
    boolean counted = name.startsWith("standstill.") || name.startsWith("com.google.re2j.");
    if (!counted || name.equals(Steps.class.getName())) {
      return super.loadClass(name, resolve);
    }
    synchronized (getClassLoadingLock(name)) {
      Class<?> loaded = findLoadedClass(name);
      return loaded != null ? loaded : counting(name);
    }
  }

  private Class<?> counting(String name) throws ClassNotFoundException {
    try (InputStream in = getResourceAsStream(name.replace('.', '/') + ".class")) {
      if (in == null) {
        throw new ClassNotFoundException(name);
      }
      ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
      new ClassReader(in).accept(new Counting(writer), 0);
      byte[] bytes = writer.toByteArray();
      return defineClass(name, bytes, 0, bytes.length);
    } catch (IOException e) {
      throw new ClassNotFoundException(name, e);
    }
  }

  private static final class Counting extends ClassVisitor {
    Counting(ClassVisitor next) {
      super(Opcodes.ASM9, next);
    }

    @Override
    public MethodVisitor visitMethod(
        int access,
        String name,
        String descriptor,
        @Nullable String signature,
        String @Nullable [] exceptions) {
      return new CountingMethod(super.visitMethod(access, name, descriptor, signature, exceptions));
    }
  }

  private static final class CountingMethod extends MethodVisitor {
    private final Set<Label> passed = new HashSet<>();

    CountingMethod(MethodVisitor next) {
      super(Opcodes.ASM9, next);
    }

    private void count() {
      super.visitMethodInsn(Opcodes.INVOKESTATIC, STEPS, "one", "()V", false);
    }

    @Override
    public void visitCode() {
      super.visitCode();
      count();
    }

    @Override
    public void visitLabel(Label label) {
      passed.add(label);
      super.visitLabel(label);
    }

    @Override
    public void visitJumpInsn(int opcode, Label label) {
      if (passed.contains(label)) {
        count();
      }
      super.visitJumpInsn(opcode, label);
    }

    @Override
    public void visitMethodInsn(
        int opcode, String owner, String name, String descriptor, boolean isInterface) {
      String standIn =
          LED_ASIDE.contains(owner) ? STAND_INS.get(owner + "." + name + descriptor) : null;
      if (standIn != null) {
        super.visitMethodInsn(Opcodes.INVOKESTATIC, STEPS, name, standIn, false);
      } else {
        super.visitMethodInsn(opcode, owner, name, descriptor, isInterface);
      }
    }
  }
}
