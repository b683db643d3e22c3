package standstill.disguise;

/** Names of accounts. */
final class UserNames {
  private final Register register;

  UserNames(Register register) {
    this.register = register;
  }

  /** The stand-in of a name; the name itself when it is an account that systems make. */
  String standIn(String name) {
    if (Trade.ACCOUNTS.has(name)
        || name.startsWith("systemd-")
        || StandIns.isMade(name)
        || name.chars().noneMatch(Character::isLetter)) {
      return name;
    }
    String standIn = register.standIns().name("user", Sort.USER, name);
    register.learn("user name", name, standIn);
    return standIn;
  }

  /** The stand-in of an e-mail address, whose name may stand elsewhere as a user's. */
  String email(String local) {
    return register.standIns().name("user", Sort.EMAIL, local) + "@example.org";
  }
}
